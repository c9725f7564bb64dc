import { readFileSync } from 'node:fs';
import { z } from 'zod';

const file = new URL('../../../../package.json', import.meta.url);

/** The version of this program. */
export const version: string = z.object({ version: z.string() }).parse(JSON.parse(readFileSync(file, 'utf8'))).version;
