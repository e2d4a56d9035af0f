/** A part of the page that is loaded when it is shown first. */
import { type ComponentType, lazy, useState } from "react";

let round = 0;

/** What could not be loaded is loaded anew when it is shown next. */
export const loadAnew = (): void => {
  round += 1;
};

/** A part that is loaded when it is shown first, or before. */
type LatePart<Props extends object> = ComponentType<Props> & { readonly preload: () => Promise<void> };

/**
 * As React's `lazy`, but a part that could not be loaded can be loaded anew: the library remembers a
 * failure for ever, and "Try again" would show the same fault. Within one round the failure stays, or
 * the library would try again without an end. A part that was loaded before is shown at once, so that
 * what is typed behind the key that opens it goes into it.
 */
export function lazily<Props extends object>(load: () => Promise<ComponentType<Props>>): LatePart<Props> {
  let failed: number | null = null;
  let loaded: ComponentType<Props> | null = null;
  const begin = () =>
    lazy(async () => {
      try {
        loaded ??= await load();
        return { default: loaded };
      } catch (fault) {
        failed = round;
        throw fault;
      }
    });
  let Part = begin();
  const show = (props: Props) => {
    // What is on the screen stays the same part.
    const [There] = useState(() => loaded);
    if (There) return <There {...props} />;
    if (failed !== null && failed < round) {
      failed = null;
      Part = begin();
    }
    return <Part {...(props as Parameters<typeof Part>[0])} />;
  };
  const preload = async () => {
    loaded ??= await load();
  };
  return Object.assign(show, { preload });
}
