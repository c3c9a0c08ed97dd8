import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { listen } from './data/journal.ts';
import { queries } from './data/queries.ts';
import './styles/index.css';

/** Longest wait for the typefaces, in ms: a page in the system's own letters is better than none. */
const FACES_MS = 1000;

/**
 * The first thing shown stands in its final letters: a face that comes later moves the buttons, and a press that
 * began on one ends beside it.
 */
async function faces(): Promise<void> {
  const wanted = ['16px "Archivo Variable"', '16px "Source Serif 4 Variable"'];
  const late = new Promise((done) => window.setTimeout(done, FACES_MS));
  await Promise.race([Promise.allSettled(wanted.map((face) => document.fonts.load(face))), late]);
}

listen();
const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the program.');
await faces();
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
