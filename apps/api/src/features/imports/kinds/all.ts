import type { z } from 'zod';
import type { ImportKind } from '#contracts/taxonomy.ts';
import { failures } from './failures.ts';
import { findings } from './findings.ts';
import { force } from './force.ts';
import type { KindOfImport } from './kind.ts';
import { production } from './production.ts';

export const kinds: Readonly<Record<z.infer<typeof ImportKind>, KindOfImport>> = {
  failures,
  production,
  findings,
  force,
};
