"use client";

import { createContext, type ReactNode, useContext } from "react";
import type { UnitSystem } from "@/lib/units/quantity";

const UnitsContext = createContext<UnitSystem>("metric");

export function UnitsProvider({
	system,
	children,
}: {
	system: UnitSystem;
	children: ReactNode;
}) {
	return (
		<UnitsContext.Provider value={system}>{children}</UnitsContext.Provider>
	);
}

/** The units the reader chose; on the server use `readPreferences`. */
export const useUnits = (): UnitSystem => useContext(UnitsContext);
