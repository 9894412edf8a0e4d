package org.voltdocket.ui;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.Role;

/**
 * What the frame around every page shows.
 *
 * @param user account that is signed in; null where nobody is
 * @param role its role; null where nobody is signed in
 * @param places where it may go, in order: what it does every day
 * @param more where it goes now and then
 */
public record PageFrame(String user, Role role, List<Place> places, List<Place> more) {

    /** Largest number of characters of a reason or another free text, for the forms. */
    public int maxText() {
        return FreeText.MAX_LENGTH;
    }

    /** Whether the page shown lies among what is folded away. */
    public boolean hereInMore() {
        return more.stream().anyMatch(Place::here);
    }

    /**
     * An entry of the navigation.
     *
     * @param label message code
     * @param here whether the page shown lies there
     */
    public record Place(String href, String label, boolean here) {}

    static PageFrame of(String user, Role account, String path) {
        List<Place> places = new ArrayList<>();
        if (account != null) {
            boolean workshop = account.isWorkshop();
            places.add(place("/desk", workshop ? "nav.my-claims" : "nav.desk", path, null));
            places.add(place("/cases", workshop ? "nav.my-cases" : "nav.cases", path, "/cases/new"));
            if (account.canEditCases()) {
                places.add(place("/cases/new", "nav.new-case", path, null));
            }
        }
        if (account != null && !account.isWorkshop()) {
            places.add(place("/insight", "nav.insight", path, null));
            places.add(place("/notices", "nav.notices", path, null));
            places.add(place("/recoveries", "nav.recoveries", path, null));
            places.add(place("/catalogue", "nav.catalogue", path, null));
            if (account.canAudit()) {
                places.add(place("/returns", "nav.returns", path, null));
            } else {
                places.add(place("/decisions/again", "nav.again", path, null)); // otherwise a tab of /returns
            }
        }
        if (account != null && account.isWorkshop()) {
            places.add(place("/usage", "nav.usage", path, null));
        }
        places.add(place("/rulebook", "nav.rulebook", path, null));
        places.add(place("/manual", "nav.manual", path, null));
        if (account != null && account.canAudit()) {
            places.add(place("/trail", "nav.trail", path, null));
        }
        if (account != null && account.canAdminister()) {
            places.add(place("/editions", "nav.editions", path, null));
            places.add(place("/reassessments", "nav.reassessments", path, null));
            places.add(place("/watch", "nav.watch", path, null));
            places.add(place("/accounts", "nav.accounts", path, null));
            places.add(place("/claim-limits", "nav.claim-limits", path, null));
            places.add(place("/privacy", "nav.privacy", path, null));
        }
        List<String> daily = daily(account);
        return new PageFrame(
                user,
                account,
                places.stream()
                        .filter(place -> daily == null || daily.contains(place.href()))
                        .toList(),
                places.stream()
                        .filter(place -> daily != null && !daily.contains(place.href()))
                        .toList());
    }

    /** What stands in the first row for the distributor's roles; the rest is folded away. Null where nothing is folded away. */
    private static List<String> daily(Role account) {
        if (account == null || account.isWorkshop()) {
            return null;
        }
        if (account.canAdminister()) {
            return List.of("/desk", "/cases", "/returns", "/insight", "/watch");
        }
        return account.canAudit()
                ? List.of("/desk", "/cases", "/returns", "/insight", "/notices")
                : List.of("/desk", "/cases", "/cases/new", "/notices", "/insight");
    }

    private static Place place(String href, String label, String path, String elsewhere) {
        boolean here = (path.equals(href) || path.startsWith(href + "/")) && !path.equals(elsewhere);
        return new Place(href, label, here);
    }
}
