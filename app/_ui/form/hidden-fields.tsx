import type { FormModel } from "@/lib/report/form-model";

/** Fields that travel with a form unseen. */
export function HiddenFields({ fields }: { readonly fields: FormModel["hidden"] }) {
  return fields.map((field) => <input key={field.name} type="hidden" name={field.name} value={field.value} />);
}
