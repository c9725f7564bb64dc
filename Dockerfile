# The service with its dashboard. Give it DATABASE_URL (see docker-compose.yml), or let it keep its own PostgreSQL in /data.
FROM node:24-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
RUN npm ci
COPY . .
RUN npm run --silent bootstrap
# What only builds and tests need stays behind; the base image brings Node itself.
RUN npm prune --omit=dev && rm -rf node_modules/node-linux-*
RUN mkdir /runtime && mv package.json prisma.config.ts node_modules prisma packages apps seed /runtime/

FROM node:24-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0 PORT=4700 DATA_DIR=/data
WORKDIR /app
COPY --from=build /runtime .
RUN install -d -o node -g node /data
USER node
VOLUME /data
EXPOSE 4700
HEALTHCHECK --interval=15s --timeout=5s --start-period=120s --retries=4 \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PORT}/api/v1/health`).then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "apps/api/src/server.ts"]
