import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

export interface SourceFile {
  /** From the root of the repository. */
  path: string;
  text: string;
  /** What it imports, as written. */
  imports: string[];
}

const importPattern =
  /(?:^|\n)\s*(?:import|export)\b[^'"\n;]*?(?:\n[^'"\n;]*)*?from\s+['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|(?:^|\n)import\s+['"]([^'"]+)['"]/g;

export const importsIn = (text: string): string[] =>
  [...text.matchAll(importPattern)].map(([, from, dynamic, bare]) => (from ?? dynamic ?? bare) as string);

/** Sources written by hand below the folders, with their imports. */
export function sourcesIn(...folders: string[]): SourceFile[] {
  return folders
    .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)))
    .filter((path) => !/\/(generated|dist|node_modules)\//.test(path))
    .map((path) => {
      const text = readFileSync(join(root, path), 'utf8');
      return { path, text, imports: importsIn(text) };
    });
}

export const readText = (path: string): string => readFileSync(join(root, path), 'utf8');
export const listFolder = (path: string): string[] => readdirSync(join(root, path)).sort();

const inTests = (path: string) => /\.test\.tsx?$/.test(path);
export const isTest = ({ path }: SourceFile): boolean => inTests(path);
