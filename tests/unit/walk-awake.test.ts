import { describe, expect, test } from 'vitest';
import { type AwakeDevice, type AwakeState, createAwake, sayAwake } from '../../src/walk/awake.ts';

/** A stand-in for the browser: sentinels are let go of when the page is hidden, as it does. */
function device(answer: 'grant' | 'refuse' | 'missing' | 'wait' = 'grant') {
  let visible = true;
  let listener = (): void => {};
  const waiting: (() => void)[] = [];
  const given: { released: boolean; letGo(): void }[] = [];
  let requests = 0;
  const sentinel = () => {
    const listeners: (() => void)[] = [];
    const made = {
      released: false,
      release: async () => made.letGo(),
      addEventListener: (_: 'release', heard: () => void) => void listeners.push(heard),
      letGo: () => {
        if (made.released) return;
        made.released = true;
        for (const heard of listeners) heard();
      },
    };
    given.push(made);
    return made;
  };
  const self: AwakeDevice = {
    request:
      answer === 'missing'
        ? null
        : async () => {
            requests++;
            if (answer === 'refuse') throw new DOMException('', 'NotAllowedError');
            if (answer === 'wait') await new Promise<void>((resolve) => waiting.push(resolve));
            return sentinel();
          },
    visible: () => visible,
    onSight: (heard) => {
      listener = heard;
      return () => {
        listener = () => {};
      };
    },
  };
  return {
    self,
    requests: () => requests,
    held: () => given.filter(({ released }) => !released).length,
    grant: () => waiting.splice(0).forEach((go) => void go()),
    see: (on: boolean) => {
      visible = on;
      if (!on) for (const one of given) one.letGo();
      listener();
    },
  };
}

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the screen', () => {
  test('nothing is asked for until the person wants it', async () => {
    const browser = device();
    const awake = createAwake(() => {}, browser.self);
    browser.see(false);
    browser.see(true);
    await settle();
    expect(browser.requests()).toBe(0);
    awake.want(true);
    await settle();
    expect([browser.requests(), awake.state()]).toEqual([1, { wanted: true, held: true, trouble: 'none' }]);
  });

  test('hidden it is let go of, seen again it is asked for anew, and each change is told', async () => {
    const browser = device();
    const told: boolean[] = [];
    const awake = createAwake(() => told.push(awake.state().held), browser.self);
    awake.want(true);
    await settle();
    browser.see(false);
    expect(awake.state()).toEqual({ wanted: true, held: false, trouble: 'none' });
    browser.see(true);
    await settle();
    expect([browser.requests(), awake.state().held, browser.held()]).toEqual([2, true, 1]);
    expect(told).toEqual([false, true, false, true]);
  });

  test('turned off it lets go, and seeing the page again asks for nothing', async () => {
    const browser = device();
    const awake = createAwake(() => {}, browser.self);
    awake.want(true);
    await settle();
    awake.want(false);
    browser.see(false);
    browser.see(true);
    await settle();
    expect([browser.requests(), browser.held(), awake.state().held]).toEqual([1, 0, false]);
  });

  test('turned off before the answer came, the lock is given back', async () => {
    const browser = device('wait');
    const awake = createAwake(() => {}, browser.self);
    awake.want(true);
    awake.want(false);
    browser.grant();
    await settle();
    expect([browser.held(), awake.state().held]).toEqual([0, false]);
  });

  test('off and on again while the first request is under way ends with one lock', async () => {
    const browser = device('wait');
    const awake = createAwake(() => {}, browser.self);
    awake.want(true);
    awake.want(false);
    awake.want(true);
    browser.grant();
    await settle();
    browser.grant();
    await settle();
    expect([browser.held(), awake.state().held]).toEqual([1, true]);
  });

  test.each<['refuse' | 'missing', AwakeState['trouble'], RegExp]>([
    ['refuse', 'refused', /battery/],
    ['missing', 'missing', /cannot/],
  ])('%s is told, and nothing is held', async (answer, trouble, says) => {
    const browser = device(answer);
    const awake = createAwake(() => {}, browser.self);
    awake.want(true);
    await settle();
    expect(awake.state()).toEqual({ wanted: true, held: false, trouble });
    expect(sayAwake(awake.state())).toMatch(says);
    awake.want(false);
    expect(sayAwake(awake.state())).toBe('The screen goes dark as it usually does.');
  });

  test('stopped, it lets go and hears no more', async () => {
    const browser = device();
    const awake = createAwake(() => {}, browser.self);
    awake.want(true);
    await settle();
    awake.stop();
    browser.see(true);
    await settle();
    expect([browser.requests(), browser.held()]).toEqual([1, 0]);
  });
});
