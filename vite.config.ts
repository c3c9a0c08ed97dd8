import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The window's page. No file is turned into a data: address, so that the page needs nothing but 'self'. */
export default defineConfig({
  root: 'renderer',
  plugins: [react()],
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // It comes from this computer, so one file of a megabyte is no wait.
    chunkSizeWarningLimit: 2_000,
  },
});
