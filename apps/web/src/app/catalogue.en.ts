/** Every feature's messages, joined by folder name. */
import { byFolder } from './by-folder.ts';

export const messages = byFolder(
  import.meta.glob<Record<string, unknown>>(['/src/*/messages.en.ts', '/src/features/*/messages.en.ts'], {
    eager: true,
    import: 'messages',
  }),
);
