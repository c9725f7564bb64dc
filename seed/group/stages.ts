import type { PlantCode } from './plants.ts';

/** Code, name, common stage. */
export type StagePlan = readonly [string, string, number];

/** Toledo ships straight from the test, so it has no stage 9. Querétaro crimps at the insertion bench (no stage 3) and added three gates. */
export const stagePlans: Record<PlantCode, readonly StagePlan[]> = {
  LEJ: [
    ['WE', 'Wareneingang', 1],
    ['CR', 'Crimpen', 2],
    ['LL', 'Leitungslager', 3],
    ['BE', 'Bestücken', 4],
    ['VP', 'Verriegeln und Sichtprüfung', 5],
    ['EP', 'Elektrische Endprüfung', 6],
    ['VM', 'Verlegen und Endmontage', 7],
    ['FP', 'Fertigproduktprüfung', 8],
    ['VL', 'Versandlager', 9],
    ['FE', 'Feld', 10],
  ],
  POZ: [
    ['PR', 'Przyjęcie materiału', 1],
    ['ZA', 'Zaciskanie', 2],
    ['MP', 'Magazyn przewodów', 3],
    ['WK', 'Wkładanie terminali', 4],
    ['BW', 'Blokada wtórna i kontrola', 5],
    ['TE', 'Test elektryczny', 6],
    ['MK', 'Montaż końcowy', 7],
    ['TW', 'Test wyrobu', 8],
    ['MW', 'Magazyn wysyłkowy', 9],
    ['RY', 'Rynek', 10],
  ],
  QRO: [
    ['RM', 'Recibo de materiales', 1],
    ['CE', 'Corte y engaste', 2],
    ['IT', 'Inserción de terminales', 4],
    ['SS', 'Seguro secundario', 5],
    ['IL', 'Inspección con láser', 5],
    ['P1', 'Prueba eléctrica 1', 6],
    ['P2', 'Prueba eléctrica 2', 6],
    ['EN', 'Enrutado y ensamble', 7],
    ['PF', 'Prueba final', 8],
    ['MC', 'Muro de calidad', 9],
    ['CA', 'Campo', 10],
  ],
  SUZ: [
    ['S01', '进料检验 Receiving', 1],
    ['S02', '压接 Crimp', 2],
    ['S03', '线束存放 Lead storage', 3],
    ['S04', '插入 Insertion', 4],
    ['S05', '二次锁检查 Lock check', 5],
    ['S06', '电测 Electrical test', 6],
    ['S07', '总装 Final assembly', 7],
    ['S08', '成品测试 Product test', 8],
    ['S09', '仓库与运输 Warehouse', 9],
    ['S10', '售后 Field', 10],
  ],
  TOL: [
    ['RCV', 'Receiving', 1],
    ['CRP', 'Crimp cell', 2],
    ['LST', 'Lead racks', 3],
    ['INS', 'Insertion', 4],
    ['TPA', 'Lock and visual', 5],
    ['EOL', 'End-of-line test', 6],
    ['ASM', 'Board assembly', 7],
    ['FPT', 'Finished product test', 8],
    ['FLD', 'Field', 10],
  ],
};
