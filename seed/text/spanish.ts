import type { Texts } from './texts.ts';

export const spanish: Texts = {
  seen: {
    tooling: [
      'Terminal {cavity} doblada hacia arriba detrás del engaste, no entra el seguro.',
      'Altura de engaste alta, varias puntas del mismo aplicador.',
      'Lengüeta de corte larga, la terminal sobresale en {cavity}.',
    ],
    handling: [
      'Lanceta aplastada antes de insertar, puntas enredadas en la caja.',
      'Dos puntas enganchadas, lanceta doblada de lado.',
      'Carrete golpeado en la orilla, primeras terminales deformadas.',
    ],
    partial_seat: [
      'No se sintió el clic en {cavity}. Se empujó otra vez y ya sostiene.',
      'El seguro secundario no cerraba hasta empujar {cavity}.',
      'Terminal corta como medio milímetro, seguro sin daño.',
    ],
    misinsertion: [
      'Circuito en cavidad equivocada, cambiado con la vecina de {cavity}.',
      'Terminal al revés en {cavity}, seguro blanqueado.',
      'Empujada más allá del tope, guía rota.',
    ],
    probe_damage: [
      'Marca fresca dentro del contacto {cavity}, contacto abierto.',
      'Pasó la prueba y después quedó floja.',
      'Fuerza de acople de {cavity} mucho menor que las vecinas.',
    ],
    wire_dress: [
      'Cable de {cavity} jalado de lado, terminal inclinada. Sostiene al soltar el cable.',
      'Cincho pegado al conector, sin holgura.',
      'Ramal corto, el conector cuelga del cable.',
    ],
    adhesive: [
      'Residuo detrás de {cavity}, terminal sin juego.',
      'Película transparente en la cavidad, seguro pegado.',
      'Pegamento agrietado, la terminal se recorre con poca fuerza.',
    ],
    component: [
      'Seguro de {cavity} corto, inyección incompleta.',
      'Lanceta baja, lote {lot}.',
      'Rebaba en {cavity}, la terminal topa antes.',
    ],
    application_limit: [
      'Se salió con vibración, piezas según dibujo.',
      'Sin seguro secundario en esta posición, carga lateral.',
      'Se recorrió después del horno, retención dentro de especificación.',
    ],
  },
  proof: {
    tooling: [
      'Altura de engaste fuera en cinco de cinco puntas del mismo aplicador.',
      'Mismo doblez en todas las piezas.',
    ],
    handling: ['Dobleces en varias direcciones, sin herramienta común.', 'Lancetas aplastadas dentro de la caja.'],
    partial_seat: ['Asienta con clic y sostiene 50 N.', 'Sin marca en la lanceta, falta profundidad.'],
    misinsertion: ['Continuidad cruzada, seguro blanqueado.', 'Guía de orientación cortada.'],
    probe_damage: [
      'Marca de punta de prueba en microscopio; antes de la prueba está bien.',
      'Siempre la misma posición del tablero.',
    ],
    wire_dress: ['Sostiene al cortar el cincho.', 'Seguro intacto, terminal inclinada hacia el ramal.'],
    adhesive: ['Residuo con luz ultravioleta.', 'Sin juego, pegamento agrietado.'],
    component: ['Reporte dimensional del lote anexo.', 'Misma cavidad del molde en todas las muestras.'],
    application_limit: ['Retención dentro de especificación, carga medida mayor.'],
  },
  outside: [
    'El cliente reporta falla intermitente. ',
    'Devuelto de la línea del cliente. ',
    'Taller: falla después de meses. ',
  ],
  reason: [
    'Se revisó la pieza devuelta.',
    'Nueva evidencia del laboratorio.',
    'Comparado con otros reportes de la semana.',
  ],
};
