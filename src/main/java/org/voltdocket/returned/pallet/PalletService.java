package org.voltdocket.returned.pallet;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.BenchAccess;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnListRepository;
import org.voltdocket.trail.Trail;

/** Pallets of returned batteries. For actors who may audit. */
@Service
@Transactional
public class PalletService {

    private final PalletRepository store;
    private final ReturnListRepository list;
    private final Trail trail;
    private final Clock clock;

    PalletService(PalletRepository store, ReturnListRepository list, Trail trail, Clock clock) {
        this.store = store;
        this.list = list;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * Registers a pallet with its list.
     *
     * @throws RequestException (400) if it is invalid, with every invalid line
     * @throws RequestException (409) if its number is taken
     */
    public Pallet note(Actor actor, PalletDeliveryNote note) {
        BenchAccess.require(actor);
        UUID id = UUID.randomUUID();
        Instant now = clock.instant();
        if (!store.add(id, note, now.atOffset(ZoneOffset.UTC), actor.user())) {
            throw ReturnErrors.palletExists(note.number());
        }
        trail.record(
                actor,
                "pallet-noted",
                "pallet " + note.number(),
                Map.of(
                        "return.sender",
                        note.sender(),
                        "return.listed",
                        note.serials().size()));
        return store.find(id).orElseThrow();
    }

    /** All pallets, the latest first. */
    @Transactional(readOnly = true)
    public List<Pallet> all(Actor actor) {
        BenchAccess.require(actor);
        return store.all();
    }

    /** @throws org.voltdocket.kernel.RequestException (404) if there is none */
    @Transactional(readOnly = true)
    public Pallet.Details whole(Actor actor, UUID id) {
        BenchAccess.require(actor);
        Pallet pallet = store.find(id).orElseThrow(() -> RequestException.notFound("pallet"));
        Map<BatterySerial, ReturnListItem> arrived = new HashMap<>();
        List<ReturnListItem> booked = list.ofPallet(id);
        booked.forEach(line -> arrived.put(line.serial(), line));
        List<Pallet.Line> all = new ArrayList<>();
        List<BatterySerial> listed = store.lines(id);
        for (int i = 0; i < listed.size(); i++) {
            all.add(new Pallet.Line(i + 1, listed.get(i), arrived.remove(listed.get(i))));
        }
        arrived.values().forEach(line -> all.add(new Pallet.Line(0, line.serial(), line)));
        return new Pallet.Details(pallet, all);
    }
}
