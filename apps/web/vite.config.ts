import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** During development the API runs by itself; `API_PORT` says where. */
const apiPort = process.env.API_PORT ?? '4700';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  server: {
    port: 4710,
    strictPort: true,
    proxy: { '/api': { target: `http://127.0.0.1:${apiPort}`, changeOrigin: false } },
  },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 700,
  },
});
