/** Being built in this very change. */
export function PanelScreen({ mark }: { readonly mark: string }) {
  return <h1>Panel {mark}</h1>;
}
