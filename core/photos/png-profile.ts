import { crc32, deflateSync } from 'node:zlib';

/** Where the first chunk after the header of a PNG begins: signature 8, then IHDR of 25 bytes. */
const AFTER_HEADER = 33;

/**
 * Puts a colour profile into a PNG (chunk iCCP). Pixels that come bare from a decoder have no other way to be read
 * as what they are. Source: PNG specification, third edition, 11.3.2.3.
 */
export function withProfile(png: Buffer, profile: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from('iCCPicc\0\0', 'latin1'), deflateSync(profile, { level: 1 })]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(body.length - 4, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(body), body.length + 4);
  return Buffer.concat([png.subarray(0, AFTER_HEADER), chunk, png.subarray(AFTER_HEADER)]);
}
