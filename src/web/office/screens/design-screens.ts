// What a panel is designed with, as one script: the screens share the engine, and one leads to the next.
export { ChoosingScreen } from './choosing/choosing-screen.tsx';
export { ConnectionScreen } from './connection/connection-screen.tsx';
export { PanelScreen } from './panel/panel-screen.tsx';
