/** A part of the page that is loaded when it is shown first. */
import { type ComponentType, lazy } from "react";

let round = 0;

/** What could not be loaded is loaded anew when it is shown next. */
export const loadAnew = (): void => {
  round += 1;
};

/**
 * As React's `lazy`, but a part that could not be loaded can be loaded anew: the library remembers a
 * failure for ever, and "Try again" would show the same fault. Within one round the failure stays, or
 * the library would try again without an end.
 */
export function lazily<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> {
  let failed: number | null = null;
  const begin = () =>
    lazy(async () => {
      try {
        return { default: await load() };
      } catch (fault) {
        failed = round;
        throw fault;
      }
    });
  let Part = begin();
  return (props: Props) => {
    if (failed !== null && failed < round) {
      failed = null;
      Part = begin();
    }
    return <Part {...(props as Parameters<typeof Part>[0])} />;
  };
}
