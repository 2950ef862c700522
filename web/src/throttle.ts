/** Calls at most once per period; of the calls in between, the newest is made at its end. */
export function throttled<T>(call: (value: T) => void, period_ms: number): (value: T) => void {
  let last = Number.NEGATIVE_INFINITY;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let newest: T;
  const run = () => {
    timer = null;
    last = performance.now();
    call(newest);
  };
  return (value) => {
    newest = value;
    timer ??= setTimeout(run, Math.max(0, last + period_ms - performance.now()));
  };
}
