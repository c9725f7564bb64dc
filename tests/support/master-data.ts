/** Invented plants and parts for tests, written straight to the database. Give only the fields that matter to the test. */
import { newId } from '#api/platform/ids.ts';
import { stages } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';

type Fields<Model> = Partial<Model>;
let serial = 0;
const code = (prefix: string) => `${prefix}-${++serial}`;
const day = (text: string) => new Date(text);

export const makePlant = (db: Database, fields: Fields<Prisma.PlantUncheckedCreateInput> = {}) =>
  db.prisma.plant.create({
    data: { id: newId(), code: code('PL'), name: 'Plant', zone: 'Europe/Lisbon', currency: 'EUR', ...fields },
  });

export const makeLine = (db: Database, plantId: string, fields: Fields<Prisma.LineUncheckedCreateInput> = {}) =>
  db.prisma.line.create({ data: { id: newId(), plantId, code: code('LN'), name: 'Line', ...fields } });

/** All ten common stages under the plant's own codes. */
export const makeStages = (db: Database, plantId: string) =>
  db.prisma.stage.createManyAndReturn({
    data: stages.map((name, index) => ({
      id: newId(),
      plantId,
      code: `ST${index + 1}`,
      name,
      common: index + 1,
      position: index + 1,
    })),
  });

export const makeHousing = (db: Database, fields: Fields<Prisma.HousingUncheckedCreateInput> = {}) =>
  db.prisma.housing.create({
    data: {
      id: newId(),
      code: code('HSG'),
      name: 'Housing',
      rows: 2,
      columns: 6,
      retentionStyle: 'terminal_lance',
      secondaryLock: 'separate',
      ...fields,
    },
  });

export const makeTerminal = (db: Database, fields: Fields<Prisma.TerminalUncheckedCreateInput> = {}) =>
  db.prisma.terminal.create({
    data: { id: newId(), code: code('TRM'), name: 'Terminal', wireMinMm2: 0.35, wireMaxMm2: 0.75, ...fields },
  });

export const makeWire = (db: Database, fields: Fields<Prisma.WireUncheckedCreateInput> = {}) =>
  db.prisma.wire.create({ data: { id: newId(), code: code('WIR'), name: 'Wire', sectionMm2: 0.5, ...fields } });

export const makeTool = (db: Database, plantId: string, fields: Fields<Prisma.ToolUncheckedCreateInput> = {}) =>
  db.prisma.tool.create({
    data: { id: newId(), plantId, code: code('TL'), name: 'Applicator', kind: 'applicator', ...fields },
  });

export const makeCustomer = (db: Database, fields: Fields<Prisma.CustomerUncheckedCreateInput> = {}) =>
  db.prisma.customer.create({ data: { id: newId(), code: code('CUS'), name: 'Customer', ...fields } });

export const makeCostRate = (
  db: Database,
  plantId: string,
  hourlyMinor: number,
  fields: Fields<Prisma.CostRateUncheckedCreateInput> = {},
) =>
  db.prisma.costRate.create({
    data: { id: newId(), plantId, kind: 'labour', validFrom: day('2020-01-01'), hourlyMinor, ...fields },
  });

export const makeExchangeRate = (db: Database, base: string, quote: string, rate: string, validFrom = '2020-01-01') =>
  db.prisma.exchangeRate.create({ data: { id: newId(), base, quote, rate, validFrom: day(validFrom) } });

export const makeStandardCost = (
  db: Database,
  plantId: string,
  stage: number,
  disposition: Prisma.StandardCostUncheckedCreateInput['disposition'],
  terminalMinor: number,
  validFrom = '2020-01-01',
) =>
  db.prisma.standardCost.create({
    data: { id: newId(), plantId, stage, disposition, terminalMinor, validFrom: day(validFrom) },
  });
