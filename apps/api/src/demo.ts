import { loadDemo } from '#seed/load.ts';
import type { Config } from './config.ts';
import { keepActions } from './demo-actions.ts';
import { workCases } from './demo-cases.ts';
import { holdBack } from './demo-containments.ts';
import { holdReviews } from './demo-reviews.ts';
import { keepScenarios } from './demo-scenarios.ts';
import { cleanPhoto } from './features/photos/image.ts';
import { storePhoto } from './features/photos/photo-files.ts';
import { hashPassword } from './platform/passwords.ts';

/** Loads the invented group into an empty database, its photos into the place where this service keeps photos. */
export async function loadDemoFor(
  config: Pick<Config, 'photoDir'>,
  url: string,
  log: (line: string) => void,
  { now = new Date(), ...options }: { now?: Date; anchor?: string; seed?: number } = {},
) {
  const savePhoto = async (image: Buffer) => {
    const { full, small, width, height } = await cleanPhoto(image);
    return { file: await storePhoto(config.photoDir, full, small), width, height, bytes: full.length };
  };
  const loaded = await loadDemo({ url, now, hashPassword, savePhoto, log, ...options });
  await keepActions(url, loaded.anchor, options.seed);
  await workCases(url, loaded.anchor);
  await holdBack(url, loaded.anchor, now);
  await keepScenarios(url, loaded.anchor, now);
  await holdReviews(url, now);
  log('Demo loaded.');
  return loaded;
}
