/** The types of numbers that the inner loop names, since as WebAssembly they differ: whole numbers of 32 bits, floating point of 64. */
type i32 = number;
type f64 = number;
type bool = boolean;
