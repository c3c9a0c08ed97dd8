import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const styles = new URL('../../renderer/styles/', import.meta.url);
const css = readFileSync(new URL('tokens.css', styles), 'utf8');
const [screen = '', print = ''] = css.split('@media print');

/** The values of one theme's block. */
function theme(selector: string, sheet = screen): Map<string, string> {
  const blocks = [...sheet.matchAll(/([^{}]+)\{([^{}]*)\}/g)].filter(([, head]) => head?.includes(selector));
  const found = new Map<string, string>();
  for (const [, , body] of blocks)
    for (const [, name, value] of (body ?? '').matchAll(/--([\w-]+):\s*(#[0-9a-f]{3,6})/g))
      if (name !== undefined && value !== undefined) found.set(name, value);
  return found;
}

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const full = hex.length === 4 ? hex.replace(/[0-9a-f]/g, '$&$&') : hex;
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(full.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

const themes = {
  light: theme("[data-theme='light']"),
  dark: theme("[data-theme='dark']"),
  'dark of the system': theme(':root:not([data-theme])'),
};

describe.each(Object.entries(themes))('contrast in the %s theme', (_, colours) => {
  const of = (name: string) => colours.get(name) ?? '#808080';

  it.each(['paper', 'sheet'])('text on %s reaches 4.5, body text 7, outlines of controls 3', (ground) => {
    for (const text of ['ink', 'ink-2', 'ink-3', 'accent'])
      expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(4.5);
    for (const text of ['ink', 'ink-2']) expect(contrast(of(text), of(ground))).toBeGreaterThanOrEqual(7);
    expect(contrast(of('edge'), of(ground))).toBeGreaterThanOrEqual(3);
  });

  it('words on ink and on the accent can be read', () => {
    expect(contrast(of('on-ink'), of('ink'))).toBeGreaterThanOrEqual(7);
    expect(contrast(of('on-accent'), of('accent'))).toBeGreaterThanOrEqual(4.5);
  });
});

describe('the themes', () => {
  it('in print every theme, chosen or of the system, is black on white', () => {
    for (const selector of [
      ':root',
      ':root:not([data-theme])',
      "[data-theme='light']",
      "[data-theme='dark']",
    ]) {
      expect(theme(selector, print).get('paper')).toBe('#fff');
      expect(theme(selector, print).get('accent')).toBe('#000');
    }
  });

  it('the dark theme of the system and the chosen one are the same', () => {
    expect(themes['dark of the system']).toEqual(themes.dark);
  });

  it('marks on photos hold two colours of which one stands out on any ground', () => {
    const marks = theme(':root');
    const paper = marks.get('mk-paper') ?? '#808080';
    const ink = marks.get('mk-ink') ?? '#808080';
    for (let grey = 0; grey <= 255; grey += 5) {
      const ground = `#${grey.toString(16).padStart(2, '0').repeat(3)}`;
      expect(Math.max(contrast(paper, ground), contrast(ink, ground))).toBeGreaterThanOrEqual(4);
    }
  });
});

describe('the style sheets', () => {
  const all = readdirSync(styles)
    .filter((name) => name.endsWith('.css'))
    .map((name) => ({ name, text: readFileSync(new URL(name, styles), 'utf8') }));

  it('only the tokens name colours, so that a theme is one place', () => {
    const named = all
      .filter(({ name }) => name !== 'tokens.css')
      .flatMap(({ name, text }) => (text.match(/#[0-9a-f]{3,8}\b/gi) ?? []).map((hex) => `${name} ${hex}`))
      .filter((use) => !/#000$/.test(use));
    expect(named).toEqual([]);
  });

  it('there are no gradients, no blurred shadows and no round keys', () => {
    for (const { text } of all) {
      expect(text).not.toMatch(/gradient\(|backdrop-filter|text-shadow|drop-shadow/);
      for (const [, radius] of text.matchAll(/border-radius:\s*(\d+)px/g))
        expect(Number(radius)).toBeLessThanOrEqual(4);
    }
  });

  it('no caption is smaller than 14 px', () => {
    for (const { text } of all)
      for (const [, size] of text.matchAll(/font(?:-size)?:\s*(?:\d{3}\s+)?(\d+)px/g))
        expect(Number(size)).toBeGreaterThanOrEqual(14);
  });
});
