/** Address of a font that the build puts among the assets. */
declare module '*.ttf' {
  const address: string;
  export default address;
}
