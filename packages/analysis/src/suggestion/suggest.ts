import { type CauseName, causes, type PerCause, perCause } from './causes.ts';
import type { ModelFinding, SuggestionModel } from './model.ts';

export type Answer = 'yes' | 'no' | 'could_not_tell';
export type Answers = ReadonlyMap<string, Answer>;

export interface CauseProbability {
  cause: CauseName;
  probability: number;
  interval: { low: number; high: number; confidence: number };
}
export interface FindingWeight {
  finding: string;
  answer: Answer;
  /** Natural log of the likelihood ratio for each cause against the others, weighted by their probability without this finding. */
  logRatio: PerCause;
}
export interface Suggestion {
  causes: CauseProbability[];
  weights: FindingWeight[];
  taken: number;
}

interface Piece {
  finding: ModelFinding;
  answer: 'yes' | 'no';
}

/** The findings that say something; "could not tell" and unknown codes carry no weight. */
function piecesOf(model: SuggestionModel, answers: Answers): Piece[] {
  return [...answers].flatMap(([code, answer]) => {
    const finding = model.findings.get(code);
    return finding && answer !== 'could_not_tell' ? [{ finding, answer }] : [];
  });
}

/**
 * Share of its full weight that a finding keeps beside n − 1 others of its group: 1 / (1 + (n − 1) ρ), so that n copies of one fact
 * count once (ρ = 1) and independent facts count fully (ρ = 0).
 * Source: the design effect of cluster samples, Kish L. (1965) Survey Sampling, section 5.4 (from memory).
 */
export const discount = (count: number, correlation: number): number => 1 / (1 + (count - 1) * correlation);

function likelihood({ finding, answer }: Piece, cause: CauseName): number {
  const { yes, no } = finding.beta[cause];
  return (answer === 'yes' ? yes : no) / (yes + no);
}

/** Variance of the log of a Beta mean by the delta method: (1 − m) / (m (n + 1)). */
function logVariance({ finding, answer }: Piece, cause: CauseName): number {
  const { yes, no } = finding.beta[cause];
  const mean = (answer === 'yes' ? yes : no) / (yes + no);
  return (1 - mean) / (mean * (yes + no + 1));
}

function keepOf(model: SuggestionModel, pieces: readonly Piece[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { finding } of pieces) counts.set(finding.group, (counts.get(finding.group) ?? 0) + 1);
  return new Map(
    [...counts].map(([group, count]) => [group, discount(count, model.dependence.get(group) ?? 0) / model.temperature]),
  );
}

/** Normalises log scores to probabilities without overflow. */
export function softmax(scores: PerCause): PerCause {
  const top = Math.max(...causes.map((cause) => scores[cause]));
  const raised = perCause((cause) => Math.exp(scores[cause] - top));
  const sum = causes.reduce((all, cause) => all + raised[cause], 0);
  return perCause((cause) => raised[cause] / sum);
}

function scoresOf(model: SuggestionModel, pieces: readonly Piece[], keep: ReadonlyMap<string, number>): PerCause {
  return perCause((cause) =>
    pieces.reduce(
      (sum, piece) => sum + keep.get(piece.finding.group)! * Math.log(likelihood(piece, cause)),
      Math.log(model.base[cause]),
    ),
  );
}

/** Probability of each cause from the answers: Bayes' theorem in log form, dependent findings discounted. */
export function probabilities(model: SuggestionModel, answers: Answers): PerCause {
  const pieces = piecesOf(model, answers);
  return softmax(scoresOf(model, pieces, keepOf(model, pieces)));
}

const z90 = 1.6448536269514722;

/** 90 % interval of a probability from the uncertainty of base rates and learned P(finding | cause), on the log-odds scale. */
function intervalOf(cause: CauseName, p: PerCause, variance: PerCause): CauseProbability['interval'] {
  const rest = 1 - p[cause];
  const spread =
    variance[cause] +
    (rest > 0
      ? causes
          .filter((other) => other !== cause)
          .reduce((sum, other) => sum + (p[other] / rest) ** 2 * variance[other], 0)
      : 0);
  const odds = Math.log(p[cause] / rest);
  const at = (logOdds: number) => 1 / (1 + Math.exp(-logOdds));
  if (!Number.isFinite(odds)) return { low: p[cause], high: p[cause], confidence: 0.9 };
  return { low: at(odds - z90 * Math.sqrt(spread)), high: at(odds + z90 * Math.sqrt(spread)), confidence: 0.9 };
}

function weightOf(piece: Piece, keep: number, p: PerCause): FindingWeight {
  const logRatio = perCause((cause) => {
    // taking the finding out again, so that it is not weighed against itself
    const without = perCause((other) => p[other] / likelihood(piece, other) ** keep);
    const others = causes.filter((other) => other !== cause);
    const all = others.reduce((sum, other) => sum + without[other], 0);
    const against = others.reduce((sum, other) => sum + (without[other] / all) * likelihood(piece, other) ** keep, 0);
    return keep * Math.log(likelihood(piece, cause)) - Math.log(against);
  });
  return { finding: piece.finding.code, answer: piece.answer, logRatio };
}

/** The causes by probability with 90 % intervals, and what each finding contributed. */
export function suggest(model: SuggestionModel, answers: Answers): Suggestion {
  const pieces = piecesOf(model, answers);
  const keep = keepOf(model, pieces);
  const p = softmax(scoresOf(model, pieces, keep));
  const variance = perCause((cause) =>
    pieces.reduce(
      (sum, piece) => sum + keep.get(piece.finding.group)! ** 2 * logVariance(piece, cause),
      (1 - model.base[cause]) / (model.base[cause] * (model.baseCases + 1)),
    ),
  );
  return {
    causes: causes
      .map((cause) => ({ cause, probability: p[cause], interval: intervalOf(cause, p, variance) }))
      .sort((a, b) => b.probability - a.probability),
    weights: pieces.map((piece) => weightOf(piece, keep.get(piece.finding.group)!, p)),
    taken: pieces.length,
  };
}
