import { good, refuse, type Outcome } from './outcome.ts';

/**
 * Reads one decimal number as people type it: point or comma, blanks between thousands.
 * "1,200" is refused, because it is 1.2 in one country and 1200 in the next.
 */
export function parseDecimal(text: string): Outcome<number> {
  const bare = text
    .trim()
    .replace(/(\d)[\s\u00a0\u202f](?=\d{3}(?!\d))/g, '$1')
    .replace(/\u2212/g, '-');
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(bare)) {
    return refuse('number.ambiguous', 'one decimal sign, such as 1.2 or 1200', text.trim());
  }
  const pointed = bare.replace(',', '.');
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(pointed)) {
    return refuse('number.unreadable', 'a number such as 12.5', text.trim());
  }
  return good(Number(pointed));
}

/**
 * Reads a number or a fraction: "5/16", "1-1/8", "1 1/8", "0.3125".
 * Says whether a fraction was typed, because in the workshop a fraction means inches.
 */
export function parseFraction(text: string): Outcome<{ readonly value: number; readonly fraction: boolean }> {
  const mixed = /^(?:(\d+)[\s-]+)?(\d+)\s*[/⁄]\s*(\d+)$/.exec(text.trim());
  if (!mixed) {
    const plain = parseDecimal(text);
    return plain.ok ? good({ value: plain.value, fraction: false }) : plain;
  }
  const below = Number(mixed[3]);
  if (below === 0)
    return refuse('number.unreadable', 'a fraction with something under the line', text.trim());
  return good({ value: Number(mixed[1] ?? 0) + Number(mixed[2]) / below, fraction: true });
}

/**
 * Rounds to so many figures, the way a hand would print it: 25.44 at three figures is 25.4.
 * The smallest step is kept even when the last figure is 0, so 40 stays "40.0" only when asked for.
 */
export function toFigures(value: number, figures: number): string {
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.max(0, figures - 1 - size);
  const rounded = size >= figures ? Number(value.toPrecision(figures)) : value;
  return rounded.toFixed(decimals);
}

/** How many figures were typed, leading zeros not counted: "25" 2, "29.5" 3, "0.050" 2. Fractions count as 4. */
export function figuresTyped(text: string): number {
  if (/[/⁄]/.test(text)) return 4;
  const digits =
    /[\d.,\s]+/
      .exec(text)?.[0]
      ?.replace(/[.,\s]/g, '')
      .replace(/^0+/, '') ?? '';
  return Math.max(1, digits.length);
}

/**
 * Reads a share: "50 %", "50" and "0.5" are one half. "1" alone is refused, because it may be 1 % or all of it.
 * Answer as a fraction 0…1 (more where more was typed).
 */
export function parsePercent(text: string): Outcome<number> {
  const typed = text.trim();
  const number = Number(typed.replace('%', '').replace(',', '.').trim());
  if (typed === '' || !Number.isFinite(number))
    return refuse('percent.unreadable', 'a percentage such as 50 %', typed);
  if (typed.includes('%') || number > 1 || number <= 0) return good(number / 100);
  return number === 1
    ? refuse('percent.ambiguous', 'a percentage with its sign, 1 % or 100 %', typed)
    : good(number);
}
