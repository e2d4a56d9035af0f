/** The inner loop as WebAssembly in base64, made by src/setup/inner-loop.ts. */
declare module "virtual:inner-loop" {
  const bytes: string;
  export default bytes;
}
