import type { FieldName } from '#contracts/import-fields.ts';
import type { Mapping, Question } from '#contracts/imports.ts';
import type { Client, Columns, Doer } from '../imports.queries.ts';

/** What differs from one kind of import to the next once its file was read. */
export interface KindOfImport {
  /** Columns of the staging table after `line`, in the order that the rows are written in. */
  columns: Columns;
  /** The field that names a row which only the comparison with what is there refuses. */
  comparedBy: FieldName;
  /** Compares the staged rows with what is there, in `import_verdict`; or asks what must be known first. */
  judge(client: Client, mapping: Mapping): Promise<Question[]>;
  /** Does what `import_verdict` says. */
  write(client: Client, doer: Doer): Promise<void>;
}
