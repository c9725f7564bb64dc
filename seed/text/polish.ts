import type { Texts } from './texts.ts';

export const polish: Texts = {
  seen: {
    tooling: [
      'Terminal {cavity} wygięty do góry za zaciskiem, nie zaskakuje.',
      'Wysokość zacisku za duża, kilka przewodów z tego samego aplikatora.',
      'Za długi wypustek po odcięciu, terminal wystaje w {cavity}.',
    ],
    handling: [
      'Języczek spłaszczony jeszcze przed włożeniem, przewody splątane w pudełku.',
      'Dwa przewody zahaczone o siebie, języczek zgięty w bok.',
      'Zgnieciona krawędź szpuli, pierwsze terminale zdeformowane.',
    ],
    partial_seat: [
      'Brak kliknięcia w {cavity}. Po dociśnięciu trzyma.',
      'Blokada wtórna nie zamykała się, dopóki nie dociśnięto {cavity}.',
      'Terminal za płytko o około pół milimetra, zatrzask cały.',
    ],
    misinsertion: [
      'Przewód w złej komorze, zamieniony z sąsiednią przy {cavity}.',
      'Terminal odwrotnie w {cavity}, zatrzask zbielał.',
      'Wciśnięty poza ogranicznik, żebro ścięte.',
    ],
    probe_damage: [
      'Świeży ślad w styku {cavity}, styk rozgięty.',
      'Przeszedł test, potem luźny.',
      'Siła łączenia {cavity} wyraźnie mniejsza niż u sąsiadów.',
    ],
    wire_dress: [
      'Przewód przy {cavity} mocno odciągnięty w bok, terminal przekrzywiony. Po zwolnieniu trzyma.',
      'Opaska tuż za obudową, brak luzu.',
      'Odgałęzienie za krótkie, złącze wisi na przewodzie.',
    ],
    adhesive: [
      'Pozostałość kleju za {cavity}, terminal bez luzu.',
      'Przezroczysta warstwa w komorze, zatrzask przyklejony.',
      'Klej pęknięty, terminal cofa się przy lekkim pociągnięciu.',
    ],
    component: [
      'Zatrzask {cavity} za krótki, niedolany.',
      'Języczek za niski, partia {lot}.',
      'Nadlew w {cavity}, terminal zatrzymuje się za wcześnie.',
    ],
    application_limit: [
      'Wysunął się przy wibracjach, części zgodne z rysunkiem.',
      'Brak blokady wtórnej w tym miejscu, obciążenie boczne.',
      'Cofnął się po wygrzewaniu, siła trzymania w normie.',
    ],
  },
  proof: {
    tooling: [
      'Wysokość zacisku poza tolerancją, pięć z pięciu z jednego aplikatora.',
      'To samo wygięcie na wszystkich sztukach.',
    ],
    handling: ['Zgięcia w różne strony, brak wspólnego narzędzia.', 'Języczki spłaszczone już w pudełku.'],
    partial_seat: ['Zaskakuje z kliknięciem i trzyma 50 N.', 'Brak śladu na języczku, za płytko.'],
    misinsertion: ['Połączenia zamienione, zatrzask zbielał.', 'Ścięty element orientujący.'],
    probe_damage: ['Ślad igły pod mikroskopem; przed testem dobre.', 'Zawsze ta sama pozycja adaptera.'],
    wire_dress: ['Trzyma po przecięciu opaski.', 'Zatrzask cały, terminal przekrzywiony.'],
    adhesive: ['Pozostałość w świetle ultrafioletowym.', 'Brak luzu, klej pęknięty.'],
    component: ['Raport wymiarowy partii w załączniku.', 'Zawsze to samo gniazdo formy.'],
    application_limit: ['Siła trzymania w normie, zmierzone obciążenie większe.'],
  },
  outside: ['Klient zgłasza przerywanie. ', 'Zwrot z linii klienta. ', 'Warsztat: usterka po kilku miesiącach. '],
  reason: ['Zbadano zwróconą część.', 'Nowe wyniki z laboratorium.', 'Porównano z innymi zgłoszeniami z tygodnia.'],
};
