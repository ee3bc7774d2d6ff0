/** The day by the clock on the wall, `YYYY-MM-DD`. */
export function today(): string {
  const now = new Date();
  const two = (value: number): string => `${value}`.padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
