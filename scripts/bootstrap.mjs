// Brings a clone up to date before a script runs: packages, database client, dashboard; each only when something changed.
// Plain JavaScript without dependencies, for the machine's own Node. `--without-web` leaves the dashboard as it is.
import { generate } from './bootstrap/generate.mjs';
import { install } from './bootstrap/install.mjs';
import { buildWeb } from './bootstrap/web.mjs';

try {
  install();
  generate();
  if (!process.argv.includes('--without-web')) buildWeb();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
