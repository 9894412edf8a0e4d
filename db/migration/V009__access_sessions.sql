-- Sessions of signed-in people: the schema of Spring Session JDBC 4.1.0 for PostgreSQL (Apache-2.0), in our migrations so
-- that the server never changes tables by itself. Anonymous requests store nothing here.

create table spring_session (
    primary_id             char(36) primary key,
    session_id             char(36) not null unique,
    creation_time          bigint not null,
    last_access_time       bigint not null,
    max_inactive_interval  integer not null,
    expiry_time            bigint not null,
    principal_name         varchar(100)
);

create index spring_session_expiry on spring_session (expiry_time);
create index spring_session_principal on spring_session (principal_name);

create table spring_session_attributes (
    session_primary_id  char(36) not null references spring_session (primary_id) on delete cascade,
    attribute_name      varchar(200) not null,
    attribute_bytes     bytea not null,
    primary key (session_primary_id, attribute_name)
);

-- Secret of the server: signs and encrypts cookies and the keys of second factors. One row; VOLTDOCKET_SIGNIN_SECRET replaces it.
create table server_secret (
    id      integer primary key check (id = 1),
    secret  bytea not null check (length(secret) = 32)
);

-- Failed attempts to sign in, shared by all servers. The subject is a digest: a name that was typed may be a password.
create table sign_in_throttle (
    kind           text not null check (kind in ('ACCOUNT', 'ADDRESS', 'PAIR', 'DEVICE', 'CODE')),
    subject        sha256_hex not null,
    failures       integer not null check (failures > 0),
    last_at        timestamptz not null,
    blocked_until  timestamptz,
    primary key (kind, subject)
);

create index sign_in_throttle_last on sign_in_throttle (last_at);

-- Challenges that were answered: each is accepted once.
create table used_challenge (
    digest      sha256_hex primary key,
    expires_at  timestamptz not null
);

-- Sign-ins, successful or not, for the administrators' page. The trail has them too.
create table sign_in (
    ordinal     bigint generated always as identity primary key,
    happened_at timestamptz not null,
    -- null where no account has the name
    account_id  uuid references account (id),
    address     text not null,
    -- the network that the address belongs to: 24 bits of IPv4, 48 of IPv6
    network     text not null,
    method      text not null check (method in ('PASSWORD', 'CODE', 'RECOVERY_CODE', 'PASSKEY', 'OPENID', 'TOKEN_REQUEST')),
    succeeded   boolean not null,
    -- why it is unusual; empty where it is not
    unusual     text[] not null
);

create index sign_in_account on sign_in (account_id, succeeded, network);
create index sign_in_time on sign_in (happened_at);

-- Passkeys: the schema of Spring Security 7.1 for PostgreSQL (Apache-2.0). Its classes read and write both tables.
create table user_entities (
    id            varchar(1000) primary key,
    name          varchar(100) not null unique,
    display_name  varchar(200)
);

create table user_credentials (
    credential_id                 varchar(1000) primary key,
    user_entity_user_id           varchar(1000) not null references user_entities (id),
    public_key                    bytea not null,
    signature_count               bigint,
    uv_initialized                boolean,
    backup_eligible               boolean not null,
    authenticator_transports      varchar(1000),
    public_key_credential_type    varchar(100),
    backup_state                  boolean not null,
    attestation_object            bytea,
    attestation_client_data_json  bytea,
    created                       timestamp,
    last_used                     timestamp,
    label                         varchar(1000) not null
);

create index user_credentials_user on user_credentials (user_entity_user_id);

grant delete on spring_session, spring_session_attributes, sign_in_throttle, used_challenge, sign_in, second_factor,
    recovery_code, user_credentials, user_entities to voltdocket_staff, voltdocket_workshop;
