/** Addresses of the yard's screens. */
export const places = {
  start: () => '/yard/',
  pours: () => '/yard/pours',
  pour: (pour: string) => `/yard/pour/${encodeURIComponent(pour)}`,
  piece: (piece: string) => `/yard/piece/${piece}`,
  form: (piece: string) => `/yard/piece/${piece}/form`,
  walk: (piece: string, stage: 1 | 2) => `/yard/piece/${piece}/walk/${stage}`,
  screed: (piece: string) => `/yard/piece/${piece}/screed`,
  clearance: (piece: string) => `/yard/piece/${piece}/clearance`,
  conflict: (piece: string) => `/yard/piece/${piece}/conflicts`,
  after: (piece: string) => `/yard/piece/${piece}/after`,
  survey: (piece: string) => `/yard/piece/${piece}/survey`,
  /** Whether brackets go on: all of a piece, or one by its connection's permanent key. */
  fit: (piece: string, connection: string | null = null) =>
    connection === null ? `/yard/piece/${piece}/fit` : `/yard/piece/${piece}/fit/${encodeURIComponent(connection)}`,
  bolts: (piece: string) => `/yard/piece/${piece}/bolts`,
  pull: (piece: string) => `/yard/piece/${piece}/pull`,
  delivery: (piece: string) => `/yard/piece/${piece}/delivery`,
  history: (piece: string) => `/yard/piece/${piece}/history`,
  sheet: (piece: string) => `/yard/piece/${piece}/sheet`,
  scan: () => '/yard/scan',
  device: () => '/yard/device',
} as const;
