/** A book's text in few bytes, and back again, letter for letter. */

export interface Packed {
  readonly bytes: ArrayBuffer;
  readonly how: "gzip" | "plain";
}

const through = (bytes: BlobPart, change: ReadableWritablePair<BufferSource, BufferSource>) =>
  new Response(new Blob([bytes]).stream().pipeThrough(change as ReadableWritablePair)).arrayBuffer();

/** A browser that can't compress keeps the text as it is. */
export async function pack(text: string): Promise<Packed> {
  if (typeof CompressionStream === "undefined")
    return { bytes: new TextEncoder().encode(text).buffer as ArrayBuffer, how: "plain" };
  return { bytes: await through(text, new CompressionStream("gzip")), how: "gzip" };
}

export async function unpack({ bytes, how }: Packed): Promise<string> {
  const plain = how === "gzip" ? await through(bytes, new DecompressionStream("gzip")) : bytes;
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(plain);
}
