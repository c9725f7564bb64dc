// Before the browser tests: finds Chromium, or installs Debian's where it may. Without one, CI fails and others are told how to get it.
import { type StdioOptions, spawnSync } from 'node:child_process';
import { findBrowser } from './find-browser.ts';

const packages = ['chromium', 'fonts-liberation'];

function installFromDebian() {
  if (process.getuid?.() !== 0) return;
  if (spawnSync('apt-get', ['--version']).status !== 0) return;
  console.log('Installing Chromium for the browser tests (apt-get) …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const stdio: StdioOptions = ['ignore', 'ignore', 'inherit'];
  const wait = ['-o', 'DPkg::Lock::Timeout=300', '-qq'];
  spawnSync('apt-get', [...wait, 'update'], { env, stdio });
  spawnSync('apt-get', [...wait, 'install', '-y', '--no-install-recommends', ...packages], { env, stdio });
}

if (!findBrowser()) installFromDebian();
if (!findBrowser()) {
  console.error(
    'No Chromium found: install it (Debian: apt-get install chromium) or set CHROMIUM to its path. The browser tests are left out.',
  );
  if (process.env.CI) process.exit(1);
}
