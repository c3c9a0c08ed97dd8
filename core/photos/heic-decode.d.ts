/** The package comes without types. */
declare module 'heic-decode' {
  interface HeicPixels {
    readonly width: number;
    readonly height: number;
    /** Red, green, blue, opacity: four bytes a pixel. */
    readonly data: Uint8ClampedArray<ArrayBuffer>;
  }
  export default function decode(input: { readonly buffer: Uint8Array }): Promise<HeicPixels>;
}
