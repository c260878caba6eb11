/** Lets messages that wait be taken first. A timer would do, but browsers slow nested timers to 4 ms. */
export function takeTurns(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
