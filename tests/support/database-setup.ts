import { startTestServer } from '#db/testing.ts';

/** Vitest global setup: the server for this run's test databases, stopped when the run ends. */
export default async function setup() {
  const server = await startTestServer();
  return () => server.stop();
}
