/* Old JavaScript on purpose: this file must run on whatever Node the machine has, to say what is wrong with it. */
'use strict';

var manifest = require('../package.json');

/** The package that brings the right Node for a machine, or null where npm has none. */
function pinnedPackage(platform, arch) {
  var name = ['node', platform === 'win32' ? 'win' : platform, arch].join('-');
  return manifest.optionalDependencies[name] ? name : null;
}

/**
 * One line that says what to do, or null when this Node will do: to install with, where npm brings the right one;
 * to run everything, where it does not.
 */
function complaint(version, platform, arch) {
  var parts = version.split('.');
  var major = Number(parts[0]);
  var minor = Number(parts[1]);
  if (pinnedPackage(platform, arch)) {
    if (major >= 18) return null;
    return (
      'Node ' +
      version +
      ' is too old to install Escape Ledger: install Node 18 or newer (https://nodejs.org), then try again.'
    );
  }
  if (major > 24 || (major === 24 && minor >= 7)) return null;
  return (
    'Node ' +
    version +
    ' is too old, and npm has no Node 24 for ' +
    platform +
    '-' +
    arch +
    ': install Node 24.7 or newer (https://nodejs.org), then try again.'
  );
}

module.exports = { complaint: complaint, pinnedPackage: pinnedPackage };

var line = require.main === module ? complaint(process.versions.node, process.platform, process.arch) : null;
if (line) {
  console.error(line);
  process.exit(1);
}
