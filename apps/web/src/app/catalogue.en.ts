/** Every feature's messages, joined by folder name, and the words of failed checks. */
import checks from 'zod/v4/locales/en.js';
import { byFolder } from './by-folder.ts';

export const messages = byFolder(
  import.meta.glob<Record<string, unknown>>(['/src/*/messages.en.ts', '/src/features/*/messages.en.ts'], {
    eager: true,
    import: 'messages',
  }),
);
export const validation = checks();
