import type { Cause } from '#contracts/taxonomy.ts';

/** What people of one language write. `{cavity}`, `{line}`, `{lot}` are filled in. */
export interface Texts {
  /** what was seen, by the cause behind it */
  seen: Record<Exclude<Cause, 'undetermined'>, readonly string[]>;
  /** why a report was sorted into its cause */
  proof: Record<Exclude<Cause, 'undetermined'>, readonly string[]>;
  /** what customers and workshops tell; comes before what was seen */
  outside: readonly string[];
  /** why a cause was changed */
  reason: readonly string[];
}
