import { demoPassword } from './group/people.ts';

/** How to sign in to the demo. */
export const demoSignIn: readonly string[] = [
  `Sign in to the demo with the password ${demoPassword} as`,
  '  administrator@example.test, manager@example.test, engineer@example.test (all plants), viewer@example.test (reads only),',
  '  or for one plant manager.qro@, engineer.lej@, inspector.poz@ … example.test (lej, poz, qro, suz, tol).',
  'Everybody may read this password: keep real data out of a service that holds the demo.',
];
