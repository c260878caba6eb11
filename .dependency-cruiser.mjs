// Who may import whom, type imports included. The rooms are those of docs/architecture.md.

/** room → other rooms that it may import, packages that it may import, and whether it runs without Node. */
const ROOMS = {
  engine: { rooms: [], packages: [], pure: true },
  calc: { rooms: ['engine'], packages: ['zod'], pure: true },
  job: { rooms: ['engine'], packages: ['zod', 'immer', '@noble/hashes'], pure: true },
  records: { rooms: ['job'], packages: ['zod'], pure: true },
  assess: { rooms: ['engine', 'job', 'records'], packages: [], pure: true },
  drawing: { rooms: ['engine', 'job', 'records', 'assess'], packages: [], pure: true },
  files: {
    rooms: ['job', 'drawing'],
    packages: ['zod', 'csv-parse', 'csv-stringify', 'pdfkit', '@types/pdfkit', 'uqr'],
    pure: true,
  },
  say: { rooms: ['engine', 'job', 'records', 'assess'], packages: [], pure: true },
  wire: { rooms: ['engine', 'job', 'records'], packages: ['zod'], pure: true },
  store: { rooms: ['engine', 'job', 'records', 'wire'], packages: ['zod', 'kysely', 'libsql'], pure: false },
  server: {
    rooms: ['engine', 'job', 'records', 'wire', 'store', 'files'],
    packages: ['zod', 'fastify', 'fastify-type-provider-zod', '@fastify/helmet', '@fastify/static', '@fastify/swagger'],
    pure: false,
  },
  web: {
    rooms: ['engine', 'calc', 'job', 'records', 'assess', 'drawing', 'files', 'say', 'wire'],
    packages: [
      'zod',
      'preact',
      '@preact/signals',
      'wouter-preact',
      'comlink',
      'idb',
      'immer',
      '@tanstack/virtual-core',
      'dejavu-fonts-ttf',
      'jsqr',
    ],
    pure: true,
  },
  cli: {
    rooms: ['engine', 'calc', 'job', 'records', 'assess', 'drawing', 'files', 'say', 'server', 'store', 'wire'],
    packages: ['zod', 'commander', 'dejavu-fonts-ttf'],
    pure: false,
  },
};

const ENTRIES = '^src/(cli/main|engine/index|web/[a-z-]+/main)\\.tsx?$';

const roomRules = Object.entries(ROOMS).flatMap(([room, { rooms, packages, pure }]) => [
  {
    name: `${room}-rooms`,
    comment: `src/${room} may import from: ${[room, ...rooms].join(', ')}.`,
    severity: 'error',
    from: { path: `^src/${room}/` },
    to: { path: '^(src|test|bench|scripts|bin|dist)/', pathNot: `^src/(${[room, ...rooms].join('|')})/` },
  },
  {
    name: `${room}-packages`,
    comment: `src/${room} may import packages: ${packages.join(', ') || 'none'}.`,
    severity: 'error',
    from: { path: `^src/${room}/` },
    to: {
      dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-bundled', 'npm-no-pkg', 'npm-unknown'],
      ...(packages.length > 0 ? { pathNot: `node_modules/(${packages.join('|')})/` } : {}),
    },
  },
  ...(pure
    ? [
        {
          name: `${room}-without-node`,
          comment: `src/${room} runs in a browser too: no module of Node.`,
          severity: 'error',
          from: { path: `^src/${room}/` },
          to: { dependencyTypes: ['core'] },
        },
      ]
    : []),
]);

/** Pages of src/web; what two of them use lies beside them. */
const PAGES = ['office', 'answer', 'yard'];

const pageRules = [
  ...PAGES.map((page) => ({
    name: `${page}-by-itself`,
    comment: `src/web/${page} is a page of its own: it imports nothing of another page.`,
    severity: 'error',
    from: { path: `^src/web/${page}/` },
    to: { path: `^src/web/(${PAGES.filter((other) => other !== page).join('|')})/` },
  })),
  {
    name: 'shared-by-pages',
    comment: 'What pages share knows none of them.',
    severity: 'error',
    from: { path: '^src/web/(parts|pieces|records)/' },
    to: { path: `^src/web/(${PAGES.join('|')})/` },
  },
];

export default {
  forbidden: [
    ...roomRules,
    ...pageRules,
    {
      name: 'known-room',
      comment: 'Every file of src/ lies in a room that .dependency-cruiser.mjs lists.',
      severity: 'error',
      from: {},
      to: { path: '^src/', pathNot: `^src/(${Object.keys(ROOMS).join('|')})/` },
    },
    {
      name: 'no-cycle',
      comment: 'Files that import each other in a ring cannot be understood, or moved, alone.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'resolves',
      comment: 'An import must name a file or package that is there.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-orphan',
      comment:
        'Every file of src/ is reached from the shell command, the engine that the package exports, a page or a worker.',
      severity: 'error',
      from: { path: ENTRIES },
      // A declaration stands for what only the build knows: nobody imports it.
      to: { path: '^src/', pathNot: `${ENTRIES}|\\.d\\.ts$`, reachable: false },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.json', '.d.ts'],
    },
  },
};
