/** What is used of the library that the distributions are held against; it comes without types. */
declare module 'jstat' {
  interface Library {
    readonly chisquare: { cdf(x: number, degrees: number): number; inv(p: number, degrees: number): number };
    readonly studentt: { inv(p: number, degrees: number): number };
    readonly normal: { inv(p: number, mean: number, deviation: number): number };
    readonly noncentralt: { cdf(x: number, degrees: number, noncentrality: number): number };
    gammaln(x: number): number;
    ibeta(x: number, a: number, b: number): number;
  }
  const all: { readonly jStat: Library };
  export default all;
}
