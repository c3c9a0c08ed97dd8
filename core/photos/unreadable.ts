/** A fault of the file, in words for people. */
export class Unreadable extends Error {}

const CUT =
  /premature end|unexpected end|end of (file|stream|input)|truncat|out of data|EOF|read gave|incomplete/i;
const BIG = /exceeds pixel limit|too large|exceeds .*limit|maximum/i;

/** What a decoder complained of, in words that help: cut off, too large, or simply broken. */
export function unreadableOf(complaint: string, kind: string): Unreadable {
  if (CUT.test(complaint))
    return new Unreadable(
      `Expected a whole ${kind} picture, got one that is cut off. Copy it from the camera again.`,
    );
  if (BIG.test(complaint))
    return new Unreadable(`Expected a ${kind} picture of a size that can be opened, got one too large.`);
  return new Unreadable(
    `Expected a ${kind} picture that can be read, got one that is broken. Copy it from the camera again.`,
  );
}
