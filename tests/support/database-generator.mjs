// A Prisma generator that writes the parsed schema to its output file. Prisma talks JSON-RPC, a line each: asks on stdin, is answered on stderr.
import { writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline';

const answers = {
  getManifest: () => ({ manifest: { prettyName: 'datamodel' } }),
  generate({ generator, dmmf }) {
    writeFileSync(generator.output.value, JSON.stringify(dmmf.datamodel));
    return null;
  },
};

createInterface({ input: process.stdin }).on('line', (line) => {
  const { id, method, params } = JSON.parse(line);
  process.stderr.write(`${JSON.stringify({ jsonrpc: '2.0', id, result: answers[method](params) })}\n`);
});
