/** Every feature's messages, joined by folder name, and the words of failed checks. */
import checks from 'zod/v4/locales/de.js';
import { byFolder } from './by-folder.ts';

export const messages = byFolder(
  import.meta.glob<Record<string, unknown>>(['/src/*/messages.de.ts', '/src/features/*/messages.de.ts'], {
    eager: true,
    import: 'messages',
  }),
);
export const validation = checks();
