import type { PressModel } from "@/lib/report/plan-model";
import type { FormAction } from "../form/form";

/** A button with what it sends. */
export function Press({ model, action }: { readonly model: PressModel; readonly action: FormAction }) {
  return (
    <form action={action} method={typeof action === "string" ? "post" : undefined}>
      {Object.entries(model.hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className="say">
        {model.label}
      </button>
    </form>
  );
}
