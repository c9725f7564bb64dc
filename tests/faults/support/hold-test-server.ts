/** Starts a test server and holds it until it is killed. */
import { startServer } from '#db/testing/servers.ts';

const { url } = await startServer();
process.stdout.write(`${url}\n`);
setInterval(() => {}, 60_000);
