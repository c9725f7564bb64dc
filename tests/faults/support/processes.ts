import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as delay } from 'node:timers/promises';

/** The processes whose command line names `text`, a folder for instance; zombies have none and do not count. */
export function processesNaming(text: string): number[] {
  return commands()
    .filter(({ pid, command }) => pid !== process.pid && command.includes(text))
    .map(({ pid }) => pid);
}

/** Waits until `done` holds; fails after `seconds` with what was awaited. */
export async function until(what: string, done: () => boolean | Promise<boolean>, seconds = 60): Promise<void> {
  const giveUp = Date.now() + seconds * 1000;
  while (!(await done())) {
    if (Date.now() > giveUp) throw new Error(`waited ${seconds} s in vain: ${what}`);
    await delay(50);
  }
}

function commands(): { pid: number; command: string }[] {
  if (process.platform !== 'linux') {
    return execFileSync('ps', ['-axo', 'pid=,command='], { encoding: 'utf8' })
      .split('\n')
      .map((line) => ({ pid: Number.parseInt(line, 10), command: line }));
  }
  return readdirSync('/proc')
    .map(Number)
    .filter((pid) => pid > 0)
    .map((pid) => ({ pid, command: commandLine(pid) }));
}

function commandLine(pid: number): string {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
  } catch {
    return '';
  }
}
