/** Not built yet. */
export function DeviceScreen() {
  return <h1>device</h1>;
}
