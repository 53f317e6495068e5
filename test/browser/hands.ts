import type { Locator, Page } from 'playwright-core';

/** What can be pressed, by what it is for a screen reader. */
export type Pressable = 'button' | 'link' | 'tab';

/** The selector of a class of a CSS module: Vite writes `tested` as `_tested_` and a hash. */
export function styled(name: string): string {
  return `[class*="_${name}_"]`;
}

/** How a person works a page: with the mouse, or with nothing but the keyboard. */
export interface Hand {
  page: Page;
  press(what: Pressable, name: string | RegExp): Promise<void>;
  fill(label: string | RegExp, text: string): Promise<void>;
  choose(label: string | RegExp, option: string): Promise<void>;
  /** Puts a tick, or takes it out. */
  tick(label: string | RegExp): Promise<void>;
}

/** Names are whole names unless they are patterns. */
function named(page: Page, what: Pressable, name: string | RegExp): Locator {
  return page.getByRole(what, { name, exact: typeof name === 'string' }).first();
}

/** A string is the whole label, but for the remark that the field may stay empty. */
function field(page: Page, label: string | RegExp): Locator {
  const whole =
    typeof label === 'string' ? new RegExp(`^${label.replace(/[?()]/g, '\\$&')}( \\(optional\\))?$`) : label;
  return page.getByLabel(whole).first();
}

export function mouse(page: Page): Hand {
  return {
    page,
    press: (what, name) => named(page, what, name).click(),
    fill: (label, text) => field(page, label).fill(text),
    choose: async (label, option) => {
      const select = field(page, label);
      const value = await optionOf(select, option);
      await select.selectOption(value);
    },
    tick: (label) => page.getByRole('checkbox', { name: label }).first().click(),
  };
}

const MOST_STEPS = 250;

/** Nothing but keys: Tab to get there, Enter and Space to act, arrows to choose. */
export function keyboard(page: Page): Hand {
  const reach = async (target: Locator) => {
    await target.waitFor();
    for (let steps = 0; steps < MOST_STEPS; steps++) {
      if (await target.evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`${String(target)} is not reached by ${MOST_STEPS} times Tab.`);
  };
  return {
    page,
    press: async (what, name) => {
      await reach(named(page, what, name));
      await page.keyboard.press('Enter');
    },
    fill: async (label, text) => {
      await reach(field(page, label));
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
    },
    choose: async (label, option) => {
      const select = field(page, label);
      await reach(select);
      const wanted = await optionOf(select, option);
      await page.keyboard.press('Home');
      for (let steps = 0; steps < MOST_STEPS && (await select.inputValue()) !== wanted; steps++)
        await page.keyboard.press('ArrowDown');
      if ((await select.inputValue()) !== wanted) throw new Error(`${option} is not reached by arrows.`);
    },
    tick: async (label) => {
      await reach(page.getByRole('checkbox', { name: label }).first());
      await page.keyboard.press('Space');
    },
  };
}

/** The value of the first option whose text has these words; it may come a little later than its list. */
async function optionOf(select: Locator, words: string): Promise<string> {
  const option = select.locator('option', { hasText: words }).first();
  await option.waitFor({ state: 'attached' });
  return (await option.getAttribute('value')) ?? (await option.innerText());
}
