import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { codeOf } from '../start-error.ts';

const run = promisify(execFile);

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

/** The command line of a running process; empty for one that has ended, has not been reaped, or hides it. */
export async function commandOf(pid: number): Promise<string> {
  if (process.platform === 'linux') {
    return readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '');
  }
  const [command, args] =
    process.platform === 'win32'
      ? (['tasklist', ['/FI', `PID eq ${pid}`, '/NH']] as const)
      : (['ps', ['-o', 'command=', '-p', String(pid)]] as const);
  return run(command, args).then(
    ({ stdout }) => stdout,
    () => '',
  );
}
