/**
 * What the text of the entry line becomes when a key of the pad is pressed. A digit after a letter or a digit joins it
 * ("M1" + "0"); "x" stands between a size and a length, and between a count and a size it is only a gap.
 */
export function typeOnPad(text: string, typed: string): string {
  if (typed !== 'x') return text + typed;
  if (text === '' || /[\sx]$/i.test(text)) return text;
  return /(^|[\s,])\d+$/.test(text) ? `${text} ` : `${text}x`;
}
