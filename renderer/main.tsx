import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { listen } from './data/journal.ts';
import { queries } from './data/queries.ts';
import './styles/index.css';

listen();
const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the program.');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
