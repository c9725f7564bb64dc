import { type CauseName, causes } from '#analysis/suggestion/causes.ts';
import { enoughIsKnown, nextChecks } from '#analysis/suggestion/next-check.ts';
import { type Answers, suggest } from '#analysis/suggestion/suggest.ts';
import { readReport } from '#api/features/failures/open-report.service.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { Evidence, Finding, Suggestion } from '#contracts/evidence.ts';
import { type FindingCode, findingCatalogue } from '#contracts/finding-catalogue.ts';
import type { Cause } from '#contracts/taxonomy.ts';
import type { Database, Tx } from '#db/client.ts';
import { txOne, txRows } from '#db/sql.ts';
import { computedFindings, mootFindings } from './computed.rules.ts';
import { readDecision } from './decision.queries.ts';
import { FactsRow, factsSql, StoredFinding, storedFindingsSql } from './findings.queries.ts';
import { type LoadedModel, loadModel } from './model.service.ts';
import { readStanding } from './record.service.ts';

/** Fewer confirmed cases in the group than this are called thin. */
const thinCases = 50;

export interface ReportKey {
  id: string;
  plantId: string;
  housingId: string | null;
  cause: Cause | null;
}

/** All findings of a report: those taken by people first, then those the data answers; and those it cannot show. */
async function readBasis(
  tx: Tx,
  { plantId, id }: Pick<ReportKey, 'plantId' | 'id'>,
): Promise<{ findings: Finding[]; moot: FindingCode[] }> {
  const [stored, facts] = await Promise.all([
    txRows(tx, storedFindingsSql(plantId, id), StoredFinding),
    txOne(tx, factsSql(plantId, id), FactsRow),
  ]);
  return { findings: allFindings(stored, facts), moot: facts ? mootFindings(facts) : [] };
}

export const readFindings = async (tx: Tx, report: Pick<ReportKey, 'plantId' | 'id'>): Promise<Finding[]> =>
  (await readBasis(tx, report)).findings;

function allFindings(stored: readonly StoredFinding[], facts: FactsRow | null): Finding[] {
  const computed = facts ? [...computedFindings(facts)] : [];
  return [
    ...stored.map(
      ({ imported, ...finding }): Finding => ({
        ...finding,
        part: findingCatalogue[finding.code].part,
        source: imported ? 'import' : 'person',
      }),
    ),
    ...computed.map(
      ([code, answer]): Finding => ({
        code,
        part: findingCatalogue[code].part,
        answer,
        value: null,
        limit: null,
        unit: null,
        note: null,
        source: 'computed',
        by: null,
        at: null,
      }),
    ),
  ];
}

export const answersOf = (findings: readonly Finding[]): Answers =>
  new Map(findings.map(({ code, answer }) => [code, answer]));

export interface Considered {
  findings: Finding[];
  moot: FindingCode[];
  answers: Answers;
  model: LoadedModel;
}

export async function consider(tx: Tx, report: ReportKey): Promise<Considered> {
  const [basis, model] = await Promise.all([readBasis(tx, report), loadModel(tx, report)]);
  return { ...basis, answers: answersOf(basis.findings), model };
}

function present({ findings, moot, answers, model }: Considered, muted: boolean): Suggestion {
  const { causes: opinions, weights } = suggest(model, answers);
  const lead = opinions[0]!.cause;
  const checks = nextChecks(model, answers, new Set(moot));
  return {
    causes: opinions,
    weights: weights
      .map(({ finding, answer, logRatio }) => ({
        finding: finding as FindingCode,
        answer,
        logRatio: logRatio[lead],
        byCause: causes.map((cause: CauseName) => ({ cause, logRatio: logRatio[cause] })),
      }))
      .sort((a, b) => Math.abs(b.logRatio) - Math.abs(a.logRatio)),
    nextChecks: checks.map((check) => ({ ...check, finding: check.finding as FindingCode })),
    enough: enoughIsKnown(checks),
    model: {
      version: model.version,
      casesPlant: model.cases.plant,
      casesGroup: model.cases.group,
      muted,
      basis: model.cases.group === 0 ? 'prior' : model.cases.group < thinCases ? 'thin' : 'learned',
    },
    takenFindings: findings.filter(({ source }) => source !== 'computed').length,
  };
}

/** Findings, suggestion and next checks of a report the actor may read. */
export async function readEvidence(db: Database, actor: Actor, id: string): Promise<Evidence> {
  const report = await readReport(db, actor, id);
  const [considered, standing, decision] = await Promise.all([
    consider(db.prisma, report),
    readStanding(db),
    readDecision(db, report.plantId, id),
  ]);
  return {
    findings: considered.findings,
    moot: considered.moot,
    decision,
    suggestion: present(considered, standing === 'not_better'),
    version: report.version,
  };
}
