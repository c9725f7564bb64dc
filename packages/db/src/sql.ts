/** Tagged SQL: values are always bound, fragments nest, the text holds placeholders only. */

export type SqlValue =
  | string
  | number
  | bigint
  | boolean
  | Date
  | Uint8Array
  | null
  | readonly (string | number | bigint | boolean | Date | null)[];

export class Sql {
  readonly strings: readonly string[];
  readonly values: readonly SqlValue[];

  constructor(strings: readonly string[], values: readonly SqlValue[]) {
    this.strings = strings;
    this.values = values;
  }

  /** The statement with `$1 …` placeholders, as the driver takes it. */
  get text(): string {
    return this.strings.reduce((text, part, index) => `${text}$${index}${part}`);
  }
}

/** sql`select f.id from failure f where f.plant_id = ${plantId} and ${filter}` */
export function sql(parts: TemplateStringsArray, ...inputs: readonly (SqlValue | Sql)[]): Sql {
  return compose(parts, inputs);
}

/** Fragments one after the other with a constant between them; nothing at all for an empty list. */
export function join(fragments: readonly Sql[], separator = ', '): Sql {
  if (fragments.length === 0) return empty;
  return compose(['', ...Array<string>(fragments.length - 1).fill(separator), ''], fragments);
}

/** Text taken as it is. Compiles for literal types only, so that no input can reach it. */
export function raw<const Text extends string>(text: string extends Text ? never : Text): Sql {
  return new Sql([text], []);
}

export const empty = new Sql([''], []);

function compose(parts: readonly string[], inputs: readonly (SqlValue | Sql)[]): Sql {
  const strings = [parts[0] ?? ''];
  const values: SqlValue[] = [];
  const append = (text: string) => {
    strings[strings.length - 1] += text;
  };
  inputs.forEach((input, index) => {
    if (input instanceof Sql) {
      append(input.strings[0] ?? '');
      strings.push(...input.strings.slice(1));
      values.push(...input.values);
    } else {
      if (input === undefined) throw new TypeError(`sql value ${index + 1} is undefined; use null for SQL NULL`);
      values.push(input);
      strings.push('');
    }
    append(parts[index + 1] ?? '');
  });
  return new Sql(strings, values);
}

export { execute, queryOne, queryRows, txExecute, txOne, txRows } from './query.ts';
