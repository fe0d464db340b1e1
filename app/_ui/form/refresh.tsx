"use client";

import { startTransition, useEffect, useState } from "react";

/**
 * Makes a form anew from what it says. While scripts run it is no button of the form's own: Enter in a field goes on saving.
 */
export function Refresh(props: { readonly label: string; readonly action: (data: FormData) => Promise<void> }) {
  const { label, action } = props;
  const [live, setLive] = useState(false);
  useEffect(() => setLive(true), []);
  return live ? (
    <button
      type="button"
      className="say"
      onClick={(event) => {
        const { form } = event.currentTarget;
        if (form) startTransition(() => action(new FormData(form)));
      }}
    >
      {label}
    </button>
  ) : null;
}
