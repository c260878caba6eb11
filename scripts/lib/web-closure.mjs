// What a script brings along, from esbuild's list of outputs by address.

/** The script and every script that it imports at once, in the order in which they are found. */
export function followStatic(outputs, script) {
  return follow(outputs, script, ({ kind }) => kind === 'import-statement');
}

/** Everything that the script may ever ask for: scripts that come later, fonts, pictures. */
export function listReached(outputs, script) {
  return follow(outputs, script, () => true);
}

function follow(outputs, script, isFollowed) {
  const found = new Set([script]);
  for (const path of found) {
    for (const one of outputs.get(path)?.imports ?? []) {
      if (!one.external && isFollowed(one)) found.add(one.path);
    }
  }
  return [...found];
}
