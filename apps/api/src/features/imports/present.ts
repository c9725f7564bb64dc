import type { Import, ImportSummary } from '#contracts/imports.ts';
import { Mapping, Progress } from '#contracts/imports.ts';
import type { ImportJob } from '#db/generated/client.ts';
import { StoredFile, StoredResult } from './stored.ts';

export function presentSummary(job: ImportJob, createdBy: string): ImportSummary {
  const { outcome, trouble } = StoredResult.parse(job.result);
  const { id, kind, state, source, fileName, version } = job;
  return {
    id,
    kind,
    state,
    source,
    fileName,
    bytes: Number(job.bytes),
    createdBy,
    createdAt: job.createdAt.toISOString(),
    finishedAt: job.finishedAt?.toISOString() ?? null,
    progress: Progress.parse(job.progress),
    outcome,
    trouble,
    version,
  };
}

export function presentImport(job: ImportJob, createdBy: string): Import {
  const { outcome, questions, unknown, unknownLeftOut } = StoredResult.parse(job.result);
  return {
    ...presentSummary(job, createdBy),
    ...StoredFile.parse(job.format),
    mapping: Mapping.parse(job.mapping),
    questions,
    unknown,
    unknownLeftOut,
    outcome,
  };
}
