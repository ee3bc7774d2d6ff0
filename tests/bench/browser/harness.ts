/** What the benches in a browser share: the built app, served and opened, with the processor slowed if asked. */
import { type App, launchBrowser, type OpenOptions, openAt } from '../../browser/app.ts';
import { serveBuilt } from '../../browser/serve.ts';

/** Opens the built app, hands it to `use`, and closes everything. @param slower 4 = a quarter of the speed */
export async function withApp(
  options: OpenOptions,
  use: (app: App) => Promise<void>,
  slower = 1,
): Promise<void> {
  const server = await serveBuilt();
  const browser = await launchBrowser(['--js-flags=--expose-gc']);
  try {
    const app = await openAt(browser, server.address, options);
    if (slower > 1) {
      const devtools = await app.page.context().newCDPSession(app.page);
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });
    }
    await use(app);
  } finally {
    await browser.close();
    await server.close();
  }
}
