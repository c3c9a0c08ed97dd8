import { resolve } from 'node:path';
import { ensureChromium } from '../chromium.ts';
import { buildRenderer } from './renderer-build.ts';

/** Once before the browser tests: a browser is there, and the built window is that of the present sources. */
export default async function setUpBrowserTests(): Promise<void> {
  const chromium = ensureChromium();
  if ('missing' in chromium) throw new Error(chromium.missing);
  await buildRenderer(resolve(import.meta.dirname, '../../..'));
}
