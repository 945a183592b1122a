import type { OnlineField } from "@/lib/workshop/online-choices";

/** Where a choice stands on the page. */
export const fieldId = (field: OnlineField): string => `choice-${field}`;
