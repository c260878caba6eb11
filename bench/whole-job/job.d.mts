/** See job.mjs: plain JSON in, plain JSON out. */
export function makeLargeJob(
  demo: unknown,
  count: number,
): {
  readonly job: {
    readonly panels: readonly { readonly mark: string }[];
    readonly castIns: readonly unknown[];
    readonly connections: readonly unknown[];
  };
};
