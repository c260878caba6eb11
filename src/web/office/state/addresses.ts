/** Addresses of the screens; marks and letters may hold any sign. */
const e = encodeURIComponent;

export const addresses = {
  jobs: () => '/',
  readFiles: () => '/files',
  people: () => '/people',
  /** A page of its own, for the tablets. */
  tablet: () => '/yard/',
  panels: (job: string) => `/job/${e(job)}/panels`,
  panel: (job: string, mark: string) => `/job/${e(job)}/panel/${e(mark)}`,
  connection: (job: string, mark: string) => `/job/${e(job)}/connection/${e(mark)}`,
  choosing: (job: string, mark: string) => `/job/${e(job)}/connection/${e(mark)}/insert`,
  pours: (job: string) => `/job/${e(job)}/pours`,
  pour: (job: string, pour: string) => `/job/${e(job)}/pours/${e(pour)}`,
  parts: (job: string) => `/job/${e(job)}/parts`,
  catalogue: (job: string) => `/job/${e(job)}/catalogue`,
  catalogueItem: (job: string, item: string) => `/job/${e(job)}/catalogue/${e(item)}`,
  details: (job: string) => `/job/${e(job)}/details`,
  rules: (job: string) => `/job/${e(job)}/rules`,
  revisions: (job: string) => `/job/${e(job)}/revisions`,
  transmittal: (job: string) => `/job/${e(job)}/transmittal`,
  yard: (job: string) => `/job/${e(job)}/yard`,
  yardPiece: (job: string, piece: string) => `/job/${e(job)}/yard/${e(piece)}`,
  asCast: (job: string, piece: string) => `/job/${e(job)}/yard/${e(piece)}/as-cast`,
  survey: (job: string, piece: string) => `/job/${e(job)}/yard/${e(piece)}/survey`,
  learned: (job: string) => `/job/${e(job)}/learned`,
  /** With a connection's mark: that one first. */
  plates: (job: string, mark?: string) => `/job/${e(job)}/learned/plates${mark === undefined ? '' : `/${e(mark)}`}`,
  readFilesInto: (job: string) => `/job/${e(job)}/files`,
} as const;
