/** Vitest reporter: one closing line over all suites, as the last thing printed, or written to CLOSING_LINE_FILE. */
import { writeFileSync } from 'node:fs';
import type { Reporter, SerializedError, TestModule } from 'vitest/node';

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly SerializedError[]): void {
    const counts = { passed: 0, failed: unhandled.length, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state !== 'pending') counts[state] += 1;
        else counts.failed += 1;
      }
      for (const suite of module.children.allSuites()) counts.failed += suite.errors().length;
      counts.failed += module.errors().length;
    }
    const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
    const line = `${counts.passed} passed, ${counts.failed} failed${skipped}`;
    if (process.env.CLOSING_LINE_FILE) writeFileSync(process.env.CLOSING_LINE_FILE, `${line}\n`);
    else process.on('exit', () => process.stdout.write(`${line}\n`));
  }
}
