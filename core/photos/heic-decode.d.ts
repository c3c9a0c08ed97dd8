/** The part of heic-decode that is used; the package brings no types of its own. */
declare module 'heic-decode' {
  interface Pixels {
    readonly width: number;
    readonly height: number;
    /** Red, green, blue, opacity; one byte each; upright as the container says. */
    readonly data: Uint8ClampedArray<ArrayBuffer>;
  }
  interface Waiting {
    readonly width: number;
    readonly height: number;
    decode(): Promise<Pixels>;
  }
  interface DecodeHeic {
    (input: { buffer: Uint8Array }): Promise<Pixels>;
    all(input: { buffer: Uint8Array }): Promise<Waiting[] & { dispose(): void }>;
  }
  const decode: DecodeHeic;
  export default decode;
}
