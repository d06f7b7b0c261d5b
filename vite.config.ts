import { defineConfig } from 'vite';

// The workbench is a folder of static files: `vanewright open` serves it, and so does any server of files.
export default defineConfig({
  root: 'src/web',
  base: './',
  build: {
    // The solid kernel and the writer of PDF are large and come only when files are made.
    chunkSizeWarningLimit: 1500,
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // A page that names its own styles and scripts needs no inline code, which the content policy forbids.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { entryFileNames: 'assets/[name]-[hash].js' } },
  },
  worker: { format: 'es' },
});
